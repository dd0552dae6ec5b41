namespace Archwright.Dentition;
